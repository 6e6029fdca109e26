// setWebhook and its kin. An address without TLS is taken here: the bot of a test listens on this machine.
import type { WebhookInfo } from 'grammy/types';
import { flag, integer, text, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { readAllowed } from '../updates/polling.ts';
import { dropAll } from '../updates/queue.ts';
import { endWebhook, startWebhook } from '../updates/webhook.ts';
import type { World } from '../world/world.ts';

export function setWebhook(world: World, params: Params): true {
  const url = text(params, 'url') ?? '';
  if (url === '') return deleteWebhook(world, params);
  if (!URL.canParse(url)) throw badRequest('bad webhook: invalid webhook URL specified');
  const secret = text(params, 'secret_token');
  if (secret !== undefined && !/^[\w-]{1,256}$/.test(secret))
    throw badRequest('secret token contains unallowed characters');
  const maxConnections = integer(params, 'max_connections') ?? 40;
  if (maxConnections < 1 || maxConnections > 100) throw badRequest('bad webhook: wrong max_connections');
  readAllowed(world.queue, params);
  if (flag(params, 'drop_pending_updates')) dropAll(world.queue);
  startWebhook(world, { url, secret, maxConnections });
  return true;
}

export function deleteWebhook(world: World, params: Params): true {
  endWebhook(world);
  if (flag(params, 'drop_pending_updates')) dropAll(world.queue);
  return true;
}

export function getWebhookInfo({ webhook, queue }: World): WebhookInfo {
  const pending = { has_custom_certificate: false, pending_update_count: queue.waiting.length };
  if (webhook === undefined) return { url: '', ...pending };
  const error =
    webhook.lastError === undefined
      ? {}
      : { last_error_date: webhook.lastError.date, last_error_message: webhook.lastError.message };
  return { url: webhook.url, ...pending, max_connections: webhook.maxConnections, ...error };
}
