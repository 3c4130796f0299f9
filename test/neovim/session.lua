-- One sitting with the language server through this editor's own client: open every file of a build, read the findings
-- and a hover, take one fix, read the findings again. What was seen is written as JSON for the test that started this.
-- Environment: NODE, SERVER (program), FOLDER (build), FIX (piece of a fix's title), OUTPUT (file to write).
local result = {}

local function run()
  local folder = vim.env.FOLDER
  local client = vim.lsp.start_client({
    name = 'wiretrue',
    cmd = { vim.env.NODE, vim.env.SERVER, '--stdio' },
    root_dir = folder,
  })
  local started = vim.wait(20000, function()
    local known = vim.lsp.get_client_by_id(client)
    return known ~= nil and known.initialized == true
  end, 10)
  if not started then
    error('the server did not start')
  end
  local buffers = {}
  for _, name in ipairs(vim.fn.sort(vim.fn.readdir(folder))) do
    if name:match('%.ino$') or name == 'hardware.jsonc' then
      vim.cmd('edit ' .. vim.fn.fnameescape(folder .. '/' .. name))
      local buffer = vim.api.nvim_get_current_buf()
      vim.lsp.buf_attach_client(buffer, client)
      table.insert(buffers, { name = name, number = buffer })
    end
  end

  local function ask(buffer, method, params)
    local answers, failure = vim.lsp.buf_request_sync(buffer, method, params, 20000)
    if answers == nil then
      error(method .. ': ' .. tostring(failure))
    end
    local answer = answers[client] or {}
    if answer.error then
      error(method .. ': ' .. vim.inspect(answer.error))
    end
    return answer.result
  end

  local function document(buffer)
    return { uri = vim.uri_from_bufnr(buffer) }
  end

  -- A request is answered behind the findings of the text it is about.
  local function findings()
    local seen = {}
    for _, buffer in ipairs(buffers) do
      ask(buffer.number, 'textDocument/hover', {
        textDocument = document(buffer.number),
        position = { line = 0, character = 0 },
      })
      for _, found in ipairs(vim.diagnostic.get(buffer.number)) do
        table.insert(seen, {
          file = buffer.name,
          line = found.lnum,
          character = found.col,
          endLine = found.end_lnum,
          endCharacter = found.end_col,
          severity = vim.diagnostic.severity[found.severity]:lower(),
          rule = found.user_data.lsp.code,
          message = found.message,
          source = found.source,
        })
      end
    end
    return seen
  end

  local function fix(title)
    for _, buffer in ipairs(buffers) do
      for _, found in ipairs(vim.diagnostic.get(buffer.number)) do
        local place = { line = found.lnum, character = found.col }
        local actions = ask(buffer.number, 'textDocument/codeAction', {
          textDocument = document(buffer.number),
          range = { start = place, ['end'] = place },
          context = { diagnostics = {} },
        })
        for _, action in ipairs(actions or {}) do
          if action.title:find(title, 1, true) then
            local chosen = action.edit and action or ask(buffer.number, 'codeAction/resolve', action)
            vim.lsp.util.apply_workspace_edit(chosen.edit, 'utf-16')
            return { title = action.title, rule = found.user_data.lsp.code }
          end
        end
      end
    end
    error('no fix like ' .. title)
  end

  result.before = findings()
  local first = vim.diagnostic.get(buffers[1].number)[1]
  if first then
    result.hover = ask(buffers[1].number, 'textDocument/hover', {
      textDocument = document(buffers[1].number),
      position = { line = first.lnum, character = first.col },
    })
  end
  result.fixed = fix(vim.env.FIX)
  result.after = findings()
  vim.cmd('wall')
end

local done, failure = pcall(run)
if not done then
  result.failure = failure
end
vim.fn.writefile({ vim.json.encode(result) }, vim.env.OUTPUT)
vim.cmd('qall!')
