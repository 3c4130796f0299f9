-- From a bare sketch to a manifest in this editor: draft by code action, then completion, hover and a rename in it.
-- Environment: NODE, SERVER (program), FOLDER (sketch), OUTPUT (file to write).
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

  local function open(name)
    vim.cmd('edit ' .. vim.fn.fnameescape(folder .. '/' .. name))
    local buffer = vim.api.nvim_get_current_buf()
    vim.lsp.buf_attach_client(buffer, client)
    return buffer
  end

  local function ask(buffer, method, params)
    params.textDocument = params.textDocument or { uri = vim.uri_from_bufnr(buffer) }
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

  local function place(buffer, word, more)
    for line, text in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
      local found = text:find(word, 1, true)
      if found then
        return { line = line - 1, character = found - 1 + (more or 0) }
      end
    end
    error('no ' .. word)
  end

  local sketch = open('a.ino')
  local start = { line = 0, character = 0 }
  local actions = ask(sketch, 'textDocument/codeAction', {
    range = { start = start, ['end'] = start },
    context = { diagnostics = {}, triggerKind = 1 },
  })
  result.titles = vim.tbl_map(function(action)
    return action.title
  end, actions)
  local first = actions[1]
  if not first.edit then
    local answers = vim.lsp.buf_request_sync(sketch, 'codeAction/resolve', first, 20000)
    first = answers[client].result
  end
  vim.lsp.util.apply_workspace_edit(first.edit, 'utf-16')
  vim.cmd('wall')

  local manifest = open('hardware.jsonc')
  local offered = ask(manifest, 'textDocument/completion', { position = place(manifest, '"led"', 1) })
  result.kinds = vim.tbl_map(function(item)
    return item.label
  end, offered.items or offered)
  result.hover = ask(manifest, 'textDocument/hover', { position = place(manifest, '"beacon"', 2) }).contents.value
  local edit = ask(manifest, 'textDocument/rename', { position = place(manifest, '"beacon"', 2), newName = 'lantern' })
  vim.lsp.util.apply_workspace_edit(edit, 'utf-16')
  vim.cmd('wall')
end

local done, failure = pcall(run)
if not done then
  result.failure = failure
end
vim.fn.writefile({ vim.json.encode(result) }, vim.env.OUTPUT)
vim.cmd('qall!')
